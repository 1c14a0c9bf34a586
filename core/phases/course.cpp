#include "core/phases/course.h"

#include "core/phases/phases_of.h"

namespace soakwright {

Course course_of(const Record& record) {
  Course course;
  course.phases = phases_of(record);
  return course;
}

}  // namespace soakwright
